%
O1 (passes 0.02 mm apart)
G21 G90 G17 G94
G54
T5 M6
G43 H5
S30000 M3
G0 X-1.5 Y0. Z1.
Z-0.01
G1 X1.5 F100.
Y0.02
X-1.5 ; expect cusp-above-limit warning x3: passes 0.02 mm apart leave cusps of 0.2001 µm, allowed 0.2 µm && passes 0.0199 mm apart
Y0.04
X1.5
Y0.06
X-1.5
G0 Z1.
M5
M30
%
