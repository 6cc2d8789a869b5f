%
O1 (under another offset, but not below the top)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G55
G0 X0. Y0. Z1.
Z0.
X1.
Z1.
M5
M30
%
