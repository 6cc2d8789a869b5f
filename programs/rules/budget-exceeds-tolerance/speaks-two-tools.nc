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
G1 X3. ; expect budget-exceeds-tolerance warning: fails above 0.8 µm && tool setting ±0.5657 µm && 2 × 0.4 µm / 2 × √2 (two tools) | expect tools-share-step warning
G0 Z1.
M5
M30
%
