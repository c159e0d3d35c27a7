import { expose } from 'comlink';
import { makeEasels } from './easels';

expose(makeEasels());
