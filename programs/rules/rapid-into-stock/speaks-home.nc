%
O1 (home over a point behind the wall)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X-3. Y0. Z1.
Z-0.02
G1 X0. F100.
G28 X3. ; expect rapid-into-stock error: a rapid goes 0.02 mm into stock && a higher Z for the way there, or G1 for the way in && the depth is that of the end of tool 3 below what stands there
G0 Z1.
M5
M30
%
