%
O1 (a slot deeper than the neck is long, by a last digit)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X-3. Y0. Z1.
Z-0.3
G1 X3. F100.
Z-0.5001
X-3. ; expect reach-exceeded error @1: stock beside tool 3 stands 0.5001 mm above its tip, its reach is 0.5 mm && at X -1.998 mm, Y -0.294 mm the body of the tool is as wide as that; reach from tools.3.neck.length
G0 Z1.
M5
M30
%
