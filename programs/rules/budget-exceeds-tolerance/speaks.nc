%
O1 (a step 0.4 µm too high, which fails whatever the force)
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
Z-0.0244
G1 X3. ; expect budget-exceeds-tolerance error @1: step of 4.4 µm in pair may be off by 0.9407 µm (0.8834 to 1.025), fails above 0.8 µm (tolerance ±0.7 µm and gauge 0.1 µm) && rounding 0.4 µm, 43 % of it: stored 4.4 µm, declared 4 µm && rounding halved gains 0.2 µm, repeatability halved gains 0.08748 µm, smallest step halved gains 0.06338 µm && repeatability ±0.2828 µm, 22 % of it: 2 × 0.4 µm / 4 × √2 (two levels) && smallest step ±0.2449 µm, 16 % of it: 2 × 0.3 µm / 2 / √3 × √2 (two levels) && tool tilt and give 0.154 µm (0.0967 to 0.2383), 16 % of it: lower floor 0.8628 µm too deep, upper floor 0.7089 µm && environment ±0.09758 µm, 2.6 % of it: 2 × 0.1 K / √2 × 11.5 µm/(m K) × 60 mm
G0 Z1.
M5
M30
%
