%
O1 (no feature declared: the finest step, which the control rounds)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X-3. Y0. Z1.
Z-0.02
G1 X3. F100.
G0 X-3. Z1.
Y0.2
Z-0.0238 ; expect digits-below-resolution warning: no digit finer than 0.5 µm && the control keeps whole increments of 0.5 µm (machine.resolution)
G1 X3. ; expect budget-exceeds-tolerance warning: step of 4 µm may be off by && repeatability halved gains 0.08748 µm, rounding halved gains 0.1 µm, smallest step halved gains 0.06338 µm && repeatability ±0.2828 µm, 28 % of it: 2 × 0.4 µm / 4 × √2 (two levels) && rounding 0.2 µm, 28 % of it: stored 4 µm, written 3.8 µm && smallest step ±0.2449 µm, 21 % of it: 2 × 0.3 µm / 2 / √3 × √2 (two levels) && tool tilt and give 0.14 µm (0.08793 to 0.2166), 19 % of it: lower floor 0.8489 µm too deep, upper floor 0.7089 µm && environment ±0.09758 µm, 3.4 % of it: 2 × 0.1 K / √2 × 11.5 µm/(m K) × 60 mm
G0 Z1.
M5
M30
%
