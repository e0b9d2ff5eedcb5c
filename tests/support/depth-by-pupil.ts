import { depthByFNumber } from '../../shared/optics/depth.ts';

interface FocusedPupil {
  readonly blurMm: number;
  readonly magnification: number;
  /** D, entrance pupil diameter as the subject sees it, mm; > 0. */
  readonly pupilDiameterMm: number;
  readonly pupilDistanceMm: number;
}

/** Depth of field by the pupil's diameter in place of the effective f-number: N_eff = m·u/D. */
export const depthByPupil = ({ pupilDiameterMm, ...rig }: FocusedPupil) =>
  depthByFNumber({
    ...rig,
    effectiveFNumber: (rig.magnification * rig.pupilDistanceMm) / pupilDiameterMm,
  });
