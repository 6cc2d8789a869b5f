%
O1 (a wall between two pockets)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X-3. Y0. Z1.
Z-0.1
G1 X-0.5 F100.
G0 Z1.
X3.
Z-0.1
G1 X0.5
G0 X-0.5 ; expect rapid-into-stock error: a rapid goes 0.1 mm into stock, first at X 0.49 && Y 0 mm, Z -0.1 mm && a higher Z for the way there, or G1 for the way in && the depth is that of the end of tool 3 below what stands there
G0 Z1.
M5
M30
%
