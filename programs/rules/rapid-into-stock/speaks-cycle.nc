%
O1 (a cycle whose R lies in the stock)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X-1. Y0. Z0.2
G99 G81 Z-0.3 R-0.1 F30. ; expect rapid-into-stock error: a rapid goes 0.1 mm into stock, first at X -1 mm, Y 0 mm, Z 0 mm && a higher Z for the way there, or G1 for the way in && the depth is that of the end of tool 3 below what stands there
G80
G0 Z1.
M5
M30
%
