%
O1 (out of a slot aslant)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X-3. Y0. Z1.
Z-0.1
G1 X0. F100.
G0 X1. Z0.9 ; expect rapid-into-stock error: a rapid goes 0.09569 mm into stock, first at X 0.004 mm, Y 0 mm, Z -0.096 mm && a higher Z for the way there, or G1 for the way in && the depth is that of the end of tool 3 below what stands there
G0 Z1.
M5
M30
%
