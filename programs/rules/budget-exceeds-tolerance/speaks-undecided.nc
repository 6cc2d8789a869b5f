%
O1 (a step 0.1 µm too high, which the budget no longer shows to hold)
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
Z-0.0241
G1 X3. ; expect budget-exceeds-tolerance warning @1: step of 4.1 µm in pair may be off by 0.6302 µm && holds up to 0.6 µm (tolerance ±0.7 µm less gauge 0.1 µm) && repeatability halved gains 0.08748 µm, smallest step halved gains 0.06338 µm, tool tilt and give halved gains 0.07175 µm && repeatability ±0.2828 µm, 33 % of it: 2 × 0.4 µm / 4 × √2 (two levels) && smallest step ±0.2449 µm, 25 % of it: 2 × 0.3 µm / 2 / √3 × √2 (two levels) && tool tilt and give 0.1435 µm (0.09012 to 0.222), 23 % of it: lower floor 0.8524 µm too deep, upper floor 0.7089 µm && rounding 0.1 µm, 16 % of it: stored 4.1 µm, declared 4 µm && environment ±0.09758 µm, 3.9 % of it: 2 × 0.1 K / √2 × 11.5 µm/(m K) × 60 mm
G0 Z1.
M5
M30
%
