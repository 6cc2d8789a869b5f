%
O1 (a step as declared, its lower level approached from below)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X-3. Y0. Z1.
Z-0.02
G1 X3. F100.
G0 X-3.
Y0.2
Z-0.03
Z-0.024
G1 X3. ; expect budget-exceeds-tolerance error: fails above 0.8 µm && reversal halved gains 0.25 µm, repeatability halved gains 0.08748 µm, smallest step halved gains 0.06338 µm && reversal ±0.5 µm, 49 % of it: levels approached from above and from below && repeatability ±0.2828 µm, 20 % of it: 2 × 0.4 µm / 4 × √2 (two levels) && smallest step ±0.2449 µm, 15 % of it: 2 × 0.3 µm / 2 / √3 × √2 (two levels) && tool tilt and give 0.14 µm (0.08793 to 0.2166), 14 % of it: lower floor 0.8489 µm too deep, upper floor 0.7089 µm && environment ±0.09758 µm, 2.4 % of it: 2 × 0.1 K / √2 × 11.5 µm/(m K) × 60 mm
G0 Z1.
M5
M30
%
