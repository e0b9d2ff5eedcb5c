/**
 * The first of `plan.x`, `plan-2.x`, `plan-3.x` … that is not taken.
 *
 * @param suffix `.shootplan.yaml`
 */
export const freeName = async (
  name: string,
  suffix: string,
  isTaken: (file: string) => Promise<boolean>,
): Promise<string> => {
  for (let count = 1; ; count++) {
    const file = `${name}${count === 1 ? '' : `-${count}`}${suffix}`;
    if (!(await isTaken(file))) return file;
  }
};
