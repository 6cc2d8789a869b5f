%
O1 (a step as declared, cut by two tools)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X-3. Y0. Z1.
Z-0.02
G1 X3. F100.
G0 Z1.
T4 M6
G43 H4
S30000 M3
G0 X-3. Y0.2 Z1.
Z-0.024
G1 X3. ; expect budget-exceeds-tolerance warning: fails above 0.8 µm && tool setting halved gains 0.2061 µm, tool tilt and give halved gains 0.07 µm, repeatability halved gains 0.04528 µm && tool setting ±0.5657 µm, 57 % of it: 2 × 0.4 µm / 2 × √2 (two tools) && tool tilt and give 0.14 µm (0.08793 to 0.2166), 17 % of it: lower floor 0.8489 µm too deep, upper floor 0.7089 µm && repeatability ±0.2828 µm, 14 % of it: 2 × 0.4 µm / 4 × √2 (two levels) && smallest step ±0.2449 µm, 11 % of it: 2 × 0.3 µm / 2 / √3 × √2 (two levels) && environment ±0.09758 µm, 1.7 % of it: 2 × 0.1 K / √2 × 11.5 µm/(m K) × 60 mm | expect tools-share-step warning: the setting of both tools enters the step, √2 times that of one
G0 Z1.
M5
M30
%
