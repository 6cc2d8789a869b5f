%
O1 (a step 0.6 µm too high, in a room of which nothing is known)
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
Z-0.0246
G1 X3. ; expect budget-exceeds-tolerance error: fails above 0.8 µm && not known, and not counted: environment (environment.swing, environment.expansion, environment.loop) && rounding halved gains 0.3 µm, repeatability halved gains 0.09132 µm, tool tilt and give halved gains 0.08048 µm && rounding 0.6 µm, 53 % of it: stored 4.6 µm, declared 4 µm && repeatability ±0.2828 µm, 19 % of it: 2 × 0.4 µm / 4 × √2 (two levels) && tool tilt and give 0.161 µm (0.1011 to 0.2491), 14 % of it: lower floor 0.8698 µm too deep, upper floor 0.7089 µm && smallest step ±0.2449 µm, 14 % of it: 2 × 0.3 µm / 2 / √3 × √2 (two levels)
G0 Z1.
M5
M30
%
