import { earnedValue } from '../../../src/domain/progress/earned-value.ts';
import type { Calculation } from '../published.ts';

interface Inputs {
  readonly BAC: number;
  readonly PV: number;
  readonly EV: number;
  readonly AC: number;
}

const earnedBy = ({ BAC, PV, EV, AC }: Inputs) => earnedValue({ budget: BAC, planned: PV, earned: EV, actual: AC });

const indices = (inputs: Inputs) => {
  const value = earnedBy(inputs);
  const EAC = value.atCompletion.atIndex ?? Number.NaN;
  return {
    CV: value.costVariance,
    SV: value.scheduleVariance,
    CPI: value.costIndex,
    SPI: value.scheduleIndex,
    EAC,
    ETC: EAC - inputs.AC,
    VAC: inputs.BAC - EAC,
  };
};

const otherEstimates = (inputs: Inputs) => {
  const { atCompletion, indexNeeded } = earnedBy(inputs);
  return {
    EAC_atypical: atCompletion.restAsBudgeted,
    EAC_CPIxSPI: atCompletion.atBothIndices,
    TCPI_BAC: indexNeeded,
    TCPI_EAC: (inputs.BAC - inputs.EV) / ((atCompletion.atIndex ?? Number.NaN) - inputs.AC),
  };
};

const withTime = ({ duration_months, ...inputs }: Inputs & { readonly duration_months: number }) => {
  const { CV, SV, CPI, SPI, EAC } = indices(inputs);
  return { CV, SV, CPI, SPI, EAC, time_months: duration_months / (SPI ?? Number.NaN) };
};

export const calculations: Readonly<Record<string, Calculation>> = {
  'evm-fence': indices,
  'evm-fence-more': otherEstimates,
  'evm-schwalbe': withTime,
};
