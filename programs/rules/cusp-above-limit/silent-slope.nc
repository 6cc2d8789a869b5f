%
O1 (down a slope of 45 degrees, as far apart as allowed)
G21 G90 G17 G94
G54
T5 M6
G43 H5
S30000 M3
G0 X-1.5 Y0. Z1.
Z-0.1
G1 X1.5 F100.
Y0.0141 Z-0.1141
X-1.5
Y0.0282 Z-0.1282
X1.5
Y0.0423 Z-0.1423
X-1.5
G0 Z1.
M5
M30
%
