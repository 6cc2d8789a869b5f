%
O1 (down again into a round pocket, along its wall)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X0. Y0. Z0.1
G1 Z-0.04 F30.
X0.2 F100.
G3 I-0.2
G1 X0.
G0 Z1.
X0.2
Z-0.04
X-0.2
Z1.
X0.12 Y0.16
Z-0.04
X0. Y0.
G0 Z1.
M5
M30
%
