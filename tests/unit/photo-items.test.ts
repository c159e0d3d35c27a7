/** Photos of a log as seams to be called. */
import { describe, expect, it } from 'vitest';
import { isOfPhotos, photoItems, tilesOfPhotos } from '../../src/lessons/photo-items';
import { isRightCall } from '../../src/lessons/seam-kinds';
import { TILES_OF } from '../../src/lessons/seam-test';
import { photoLog, photoReading } from '../fixtures/photo-log';

describe('photos of a log', () => {
  const EARLY = photoReading('r1', '2026-03-01', 'undecided', 'one');
  const LATE = photoReading('r2', '2026-06-01', 'ridge', 'two');

  it('can be called once their seam has a verdict, that day or since; the last one counts', () => {
    expect(photoItems(photoLog([EARLY]), 'w')).toEqual([]);
    const both = photoItems(photoLog([EARLY, LATE]), 'w');
    expect(both.map(({ photo, is, settledOn }) => [photo, is, settledOn]).sort()).toEqual([
      ['one', 'ridge', '2026-06-01'],
      ['two', 'ridge', '2026-06-01'],
    ]);
    expect(both[0]?.pair).toEqual(['Fern', 'Amber']);
    const turned = photoItems(photoLog([EARLY, photoReading('r3', '2026-07-01', 'fused'), LATE]), 'w');
    expect(turned.map(({ is }) => is)).toEqual(['fused', 'fused']);
    // a verdict from before the photo is none on it
    expect(photoItems(photoLog([photoReading('r1', '2026-02-01', 'fused'), EARLY]), 'w')).toEqual([]);
  });

  it('undecided is right too where the one who stood before it could not tell', () => {
    const [early, late] = ['one', 'two'].map((id) =>
      photoItems(photoLog([EARLY, LATE]), 'w').find(({ photo }) => photo === id),
    );
    if (!early || !late) throw new Error('both are there');
    expect([isRightCall(early, 'undecided'), isRightCall(early, 'ridge')]).toEqual([true, true]);
    expect([isRightCall(late, 'undecided'), isRightCall(late, 'fused')]).toEqual([false, false]);
  });

  it('are the same set for two people only with the same photos and the same verdicts', () => {
    const tiles = tilesOfPhotos(photoItems(photoLog([EARLY, LATE]), 'w'));
    expect(tilesOfPhotos(photoItems(photoLog([EARLY, LATE]), 'w'))).toBe(tiles);
    expect(isOfPhotos({ tiles })).toBe(true);
    expect(isOfPhotos({ tiles: TILES_OF })).toBe(false);
    expect(tiles.length).toBeLessThanOrEqual(20);
    const turned = photoLog([EARLY, LATE, photoReading('r3', '2026-07-01', 'fused')]);
    expect(tilesOfPhotos(photoItems(turned, 'w'))).not.toBe(tiles);
  });
});
