%
O1 (a step 0.2 µm too high, which is not shown to fail)
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
Z-0.0242
G1 X3. ; expect budget-exceeds-tolerance warning: may be off by 0.7337 µm && holds up to 0.6 µm && repeatability halved gains 0.08748 µm, rounding halved gains 0.1 µm, smallest step halved gains 0.06338 µm && repeatability ±0.2828 µm, 28 % of it: 2 × 0.4 µm / 4 × √2 (two levels) && rounding 0.2 µm, 27 % of it: stored 4.2 µm, declared 4 µm && smallest step ±0.2449 µm, 21 % of it: 2 × 0.3 µm / 2 / √3 × √2 (two levels) && tool tilt and give 0.147 µm (0.09231 to 0.2275), 20 % of it: lower floor 0.8559 µm too deep, upper floor 0.7089 µm && environment ±0.09758 µm, 3.4 % of it: 2 × 0.1 K / √2 × 11.5 µm/(m K) × 60 mm
G0 Z1.
M5
M30
%
