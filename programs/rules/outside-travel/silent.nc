%
O1 (just to the ends of the travel)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X-3. Y0. Z1.
X170.
Z-80.
Z1.
X-130.
X0.
Z45.
Y-115.
Y104.
G2 X2. I1. J0. F500.
G0 Z1.
M5
M30
%
