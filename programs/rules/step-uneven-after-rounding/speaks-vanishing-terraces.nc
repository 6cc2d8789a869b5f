%
O1 (terraces side by side, 0.05 um apart as written)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X-3. Y-0.8 Z1.
Z-0.00105 (hairline: accept digits-below-resolution: it is the point here)
G1 X3. F100.
G0 Z1.
X-3. Y-0.4
Z-0.0011
G1 X3.
G0 Z1.
X-3. Y0.
Z-0.00115 (hairline: accept digits-below-resolution: it is the point here)
G1 X3. ; expect step-uneven-after-rounding warning: steps of 0.05 µm as written are stored as 0 µm, then 0.1 µm && levels side by side, stored at -0.0011 mm, -0.0011 mm and -0.0012 mm
G0 Z1.
M5
M30
%
