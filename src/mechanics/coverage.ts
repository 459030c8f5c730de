/** A value of a normal distribution lies within so many standard uncertainties 19 times of 20 (95 %). */
export const coverage95 = 1.96
