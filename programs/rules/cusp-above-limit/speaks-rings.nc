%
O1 (rings 0.021 mm apart)
G21 G90 G17 G94
G54
T5 M6
G43 H5
S30000 M3
G0 X0.3 Y0. Z1.
Z0.1
G1 Z-0.01 F10.
G3 I-0.3 F100.
G1 X0.321
G3 I-0.321 ; expect cusp-above-limit warning x2: passes 0.021 mm apart
G1 X0.342
G3 I-0.342
G0 Z1.
M5
M30
%
