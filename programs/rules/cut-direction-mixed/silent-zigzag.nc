%
O1 (passes to and fro, of which each takes the last one's wall away)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X-3. Y-0.6 Z1.
Z-0.1
G1 X3. F100.
Y-0.35
X-3.
Y-0.1
X3.
Y0.15
X-3.
Y0.4
X3.
G0 Z1.
M5
M30
%
