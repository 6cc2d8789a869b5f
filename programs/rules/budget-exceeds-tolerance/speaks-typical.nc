%
O1 (a step 0.3 µm too high, which fails unless the force is at the low end of its band)
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
Z-0.0243
G1 X3. ; expect budget-exceeds-tolerance warning: may be off by 0.8372 µm (0.7812 to 0.9195), fails above 0.8 µm && rounding halved gains 0.15 µm, repeatability halved gains 0.08748 µm, smallest step halved gains 0.06338 µm && rounding 0.3 µm, 36 % of it: stored 4.3 µm, declared 4 µm && repeatability ±0.2828 µm, 25 % of it: 2 × 0.4 µm / 4 × √2 (two levels) && smallest step ±0.2449 µm, 19 % of it: 2 × 0.3 µm / 2 / √3 × √2 (two levels) && tool tilt and give 0.1505 µm (0.09451 to 0.2329), 18 % of it: lower floor 0.8594 µm too deep, upper floor 0.7089 µm && environment ±0.09758 µm, 2.9 % of it: 2 × 0.1 K / √2 × 11.5 µm/(m K) × 60 mm
G0 Z1.
M5
M30
%
