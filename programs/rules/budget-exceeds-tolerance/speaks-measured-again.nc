%
O1 (a step as declared, its tool measured again between the levels)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
M72
G0 X-3. Y0. Z1.
Z-0.02
G1 X3. F100.
G0 X-3. Z1.
M72
X-3. Y0.2
Z-0.024
G1 X3. ; expect budget-exceeds-tolerance warning: fails above 0.8 µm && tool setting ±0.5657 µm && × √2 (measured again between the levels)
G0 Z1.
M5
M30
%
