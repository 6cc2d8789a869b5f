%
O1 (a plunge and a drilling cycle at just what the tool bears; up it may go faster)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X0. Y0. Z1.
Z0.02
G1 Z-0.02 F720.
Z0.02 F2000.
G81 X1. Y0. Z-0.1 R0.01 F720.
G80
G0 Z2.
M5
M30
%
