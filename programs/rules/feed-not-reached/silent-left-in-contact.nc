%
O1 (for exactly a revolution)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X-3. Y0. Z1.
Z-0.02
G1 X-2.3 F600.
X0.
M5
M30
%
