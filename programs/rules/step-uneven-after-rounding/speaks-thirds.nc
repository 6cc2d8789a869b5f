%
O1 (a pitch of a third of an increment: two steps of three are none)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X-3. Y0. Z1.
Z-0.00006 (hairline: accept digits-below-resolution: it is the point here)
G1 X3. F100.
G0 Z1.
X-3.
Z-0.00009 (hairline: accept digits-below-resolution: it is the point here)
G1 X3.
G0 Z1.
X-3.
Z-0.00012 (hairline: accept digits-below-resolution: it is the point here)
G1 X3.
G0 Z1.
X-3.
Z-0.00015 (hairline: accept digits-below-resolution: it is the point here)
G1 X3. ; expect step-uneven-after-rounding warning: steps of 0.03 µm as written are stored as 0 µm, then 0.1 µm && the step before begins at line 18
G0 Z1.
M5
M30
%
