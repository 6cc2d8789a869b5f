%
O1 (a second step that is two nanometres higher is meant)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X-3. Y0. Z1.
Z-0.00205 (hairline: accept digits-below-resolution: it is the point here)
G1 X3. F100.
G0 Z-0.004102 (hairline: accept digits-below-resolution: it is the point here)
G1 X-3.
G0 Z1.
M5
M30
%
