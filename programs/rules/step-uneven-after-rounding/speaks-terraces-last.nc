%
O1 (three terraces of 2.05 um, the upper one cut last and by another operation)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X-3. Y0. Z1.
Z-0.0041
G1 X3. F100.
G0 Z1.
X-3. Y0.4
Z-0.00615 (hairline: accept digits-below-resolution: it is the point here)
G1 X3.
G0 Z1.
S20000
X-3. Y-0.4
Z-0.00205 (hairline: accept digits-below-resolution: it is the point here)
G1 X3. ; expect step-uneven-after-rounding warning x2: steps of 2.05 µm as written are stored as 2.1 µm, then 2 µm && levels side by side, stored at 0 mm, -0.0021 mm and -0.0041 mm
G0 Z1.
M5
M30
%
