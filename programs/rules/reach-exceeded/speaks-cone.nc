%
O1 (the cone comes down into a slot)
G21 G90 G17 G94
G54
T4 M6
G43 H4
S30000 M3
G0 X-3. Y0. Z1.
Z-0.4
G1 X3. F100.
Z-0.55
X-3. ; expect reach-exceeded error: stock beside tool 4 stands 0.55 mm above its tip, its reach is 0.5 mm && at X -1.978 mm, Y -0.238 mm the body of the tool is as wide as that; reach from tools.4.cutting_length
G0 Z1.
M5
M30
%
