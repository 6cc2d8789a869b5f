%
O1 (a second step that is a nanometre higher counts as equal)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X-3. Y0. Z1.
Z-0.00205 (hairline: accept digits-below-resolution: it is the point here)
G1 X3. F100.
G0 Z-0.004101 (hairline: accept digits-below-resolution: it is the point here)
G1 X-3. ; expect step-uneven-after-rounding warning: steps of 2.051 µm as written are stored as 2.1 µm, then 2 µm && the step before begins at line 10
G0 Z1.
M5
M30
%
