%
O1 (half a micron deeper, then four tenths: the smaller one counts)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X-3. Y0. Z1.
Z-0.02
G1 X3. F100.
Z-0.0205
G1 X-3. ; expect step-below-smallest error x2: step-down 0.5 µm, the axes need 0.6 µm (2 × smallest step 0.3 µm) && a step-down of 0.6 µm or more, or none
Z-0.0209
G1 X3.
G0 Z1.
M5
M30
%
