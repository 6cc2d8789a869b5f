%
O1 (slots that cross at an acute angle)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X-3. Y-0.7 Z1.
Z-0.01
G1 X3. Y0.8 F100.
G0 Z1.
X-3. Y0.3
Z-0.01
G1 X3.
G0 Z1.
M5
M30
%
