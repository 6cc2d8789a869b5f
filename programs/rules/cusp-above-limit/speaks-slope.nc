%
O1 (down a slope of 45 degrees)
G21 G90 G17 G94
G54
T5 M6
G43 H5
S30000 M3
G0 X-1.5 Y0. Z1.
Z-0.1
G1 X1.5 F100.
Y0.0142 Z-0.1142
X-1.5 ; expect cusp-above-limit warning x3: passes 0.02008 mm apart leave cusps && seen from above 0.0142 mm
Y0.0284 Z-0.1284
X1.5
Y0.0426 Z-0.1426
X-1.5
G0 Z1.
M5
M30
%
