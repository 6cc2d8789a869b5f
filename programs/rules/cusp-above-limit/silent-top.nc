%
O1 (grooves so shallow that the top stands between them)
G21 G90 G17 G94
G54
T5 M6
G43 H5
S30000 M3
G0 X-1.5 Y0. Z1.
Z-0.001
G1 X1.5 F100.
Y0.1
X-1.5
Y0.2
X1.5
G0 Z1.
M5
M30
%
