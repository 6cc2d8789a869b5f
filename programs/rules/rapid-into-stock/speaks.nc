%
O1 (back over the floor of a slot, a last digit too low)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X-3. Y0. Z1.
Z-0.1
G1 X3. F100.
G0 Z-0.1001
X-3. ; expect rapid-into-stock error @1: a rapid goes 0.0001 mm into stock, first at X 2.1 && Z -0.1001 mm && a higher Z for the way there, or G1 for the way in && the depth is that of the end of tool 3 below what stands there
G0 Z1.
M5
M30
%
