%
O1 (down onto the part, a last digit too low)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X0. Y0. Z1.
Z-0.0001 ; expect rapid-into-stock error: a rapid goes 0.0001 mm into stock, first at X 0 mm, Y 0 mm, Z 0 mm && a higher Z for the way there, or G1 for the way in && the depth is that of the end of tool 3 below what stands there
G1 X1. F100.
G0 Z1.
M5
M30
%
