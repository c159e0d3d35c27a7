/** What loads first and in which order: workers grow and draw while the page's own program is still coming. */
import './look/tokens.css';
import './look/base.css';
import { beginCanvas } from '../jobs/canvas';
import { beginEngine } from '../jobs/engine-line';
import { showsPlan, viewIn } from './views';

if (showsPlan(viewIn(location.hash))) {
  beginEngine();
  beginCanvas();
}
const { start } = await import('./start');
await start();
