%
O1 (measured standing: the bearings shift at once)
G21 G90 G17 G94
G54
S20000
M71
T3 M6
G43 H3
M72
S50000 M3
G0 X-3. Y0. Z1.
Z-0.005
G1 X3. Z-0.015 F400. ; expect speed-changed-since-measuring warning @1: measured standing at line 9
G0 Z1.
M5
M30
%
