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
G1 X3. ; expect budget-exceeds-tolerance warning: may be off by 0.7337 µm && holds up to 0.6 µm && repeatability ±0.2828 µm, 28 % of it
G0 Z1.
M5
M30
%
