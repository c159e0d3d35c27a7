/** A process of `npm run validate`: told the number of a topic, it answers with what its checks gave. */
import { reportOn } from '../checks/report';
import { TOPICS } from '../checks/topics';

process.on('message', (topic: number) => {
  process.send?.(reportOn(TOPICS[topic]));
});
