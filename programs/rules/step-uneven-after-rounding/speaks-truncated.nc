%
O1 (the control cuts digits off: the first step is none)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X-2.1 Y0. Z1.
Z-0.00005 (hairline: accept digits-below-resolution: it is the point here)
G1 X2.1 F100.
Z-0.0001
G1 X-2.1 ; expect step-uneven-after-rounding warning: steps of 0.05 µm as written are stored as 0 µm, then 0.1 µm && the step before begins at line 10
Z-0.0002
G1 X2.1
G0 Z1.
M5
M30
%
