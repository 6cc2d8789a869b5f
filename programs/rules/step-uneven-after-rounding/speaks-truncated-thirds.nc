%
O1 (the control cuts digits off: three steps of 0.03 um are none, the fourth is an increment)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X-2.1 Y0. Z1.
Z-0.00003 (hairline: accept digits-below-resolution: it is the point here)
G1 X2.1 F100.
Z-0.00006 (hairline: accept digits-below-resolution: it is the point here) ; expect move-lost-in-rounding warning x2: a move of Z -0.03 µm is stored as none, resolution 0.1 µm
X-2.1
Z-0.00009 (hairline: accept digits-below-resolution: it is the point here)
X2.1
Z-0.00012 (hairline: accept digits-below-resolution: it is the point here)
X-2.1 ; expect step-uneven-after-rounding warning: steps of 0.03 µm as written are stored as 0 µm, then 0.1 µm && the step before begins at line 14
G0 Z1.
M5
M30
%
