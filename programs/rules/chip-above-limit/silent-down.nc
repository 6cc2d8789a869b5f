%
O1 (a plunge and a drilling cycle at just what the tool bears; in air and up it may be faster)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X0. Y0. Z1.
G1 Z0.1 F2000.
Z-0.02 F720.
Z1. F2000.
G81 X1. Y0. Z-0.03 R0.1 F720.
G80
G0 Z2.
M5
M30
%
