%
O1 (a second time between the passes of the first, at the same depth)
G21 G90 G17 G94
G54
T5 M6
G43 H5
S30000 M3
G0 X-1.5 Y0. Z1.
Z-0.01
G1 X1.5 F100.
Y0.03
X-1.5
Y0.06
X1.5
Y0.09
X-1.5
G0 Z1.
G0 X-1.5 Y-0.015 Z1.
Z-0.01
G1 X1.5 F100.
Y0.015
X-1.5
Y0.045
X1.5
Y0.075
X-1.5
Y0.105
X1.5
G0 Z1.
M5
M30
%
