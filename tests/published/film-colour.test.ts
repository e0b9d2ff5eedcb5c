/** XYZ of films against another implementation, which sums over the CIE's own tables. */
import { describe, expect, it } from 'vitest';
import { D65_K } from '../../shared/film/daylight.ts';
import { filmTristimulus, prepareFilm } from '../../shared/film/tristimulus.ts';

// Argyll CMS 2.3.1, `spec2cie -n -i LIGHT -o 1931_2`, fed with Airy's closed form at n 1.33, every
// 5 nm from 380 to 780 nm. Its D50 is the CIE's (5003 K), its A Planckian at 2856 K (5 K more in
// today's radiation constant).
const ROWS = [
  { lightK: D65_K, degrees: 0, thicknessNm: 100, xyz: [7.04256, 7.59351, 7.78995] },
  { lightK: D65_K, degrees: 0, thicknessNm: 300, xyz: [5.15897, 6.74765, 4.17113] },
  { lightK: D65_K, degrees: 0, thicknessNm: 500, xyz: [3.14752, 5.52119, 1.76817] },
  { lightK: D65_K, degrees: 30, thicknessNm: 300, xyz: [4.32157, 5.78519, 7.14586] },
  { lightK: 5003, degrees: 0, thicknessNm: 100, xyz: [7.15862, 7.58738, 5.92678] },
  { lightK: 5003, degrees: 0, thicknessNm: 300, xyz: [5.30582, 6.69887, 3.29128] },
  { lightK: 5003, degrees: 0, thicknessNm: 500, xyz: [3.20383, 5.41977, 1.42058] },
  { lightK: 5003, degrees: 30, thicknessNm: 300, xyz: [4.20185, 5.64429, 5.49946] },
  { lightK: 2856, degrees: 0, thicknessNm: 100, xyz: [8.15823, 7.55804, 2.5737] },
  { lightK: 2856, degrees: 0, thicknessNm: 300, xyz: [6.02217, 6.4698, 1.52734] },
  { lightK: 2856, degrees: 0, thicknessNm: 500, xyz: [3.44419, 4.95914, 0.729516] },
  { lightK: 2856, degrees: 30, thicknessNm: 300, xyz: [4.23704, 5.14526, 2.42387] },
] as const;

// https://www.argyllcms.com, its program spec2cie, over the CIE's own tables.
describe('XYZ of a film, against spec2cie', () => {
  it.each(ROWS)('$thicknessNm nm at $degrees° under $lightK K', (row) => {
    const incidenceRad = (row.degrees * Math.PI) / 180;
    const film = prepareFilm({ lightK: row.lightK, incidenceRad, index: 1.33 });
    const { x, y, z } = filmTristimulus(film, row.thicknessNm);
    [x, y, z].forEach((value, i) => {
      const expected = row.xyz[i] as number;
      expect(Math.abs(value - expected) / expected).toBeLessThan(0.01);
    });
  });
});
