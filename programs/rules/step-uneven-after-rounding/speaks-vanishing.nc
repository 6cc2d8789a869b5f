%
O1 (a staircase whose pitch is half an increment: every other step is none)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X-3. Y0. Z1.
Z-0.00005 (hairline: accept digits-below-resolution: it is the point here)
G1 X3. F100.
G0 Z1.
X-3.
Z-0.0001
G1 X3. ; expect step-uneven-after-rounding warning x3: steps of 0.05 µm as written are stored as 0.1 µm, then 0 µm && begins at line 10
G0 Z1.
X-3.
Z-0.00015 (hairline: accept digits-below-resolution: it is the point here)
G1 X3.
G0 Z1.
X-3.
Z-0.0002
G1 X3.
G0 Z1.
M5
M30
%
