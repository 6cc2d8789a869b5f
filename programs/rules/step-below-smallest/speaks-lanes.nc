%
O1 (two lanes side by side: neither is a step-down of the other)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X-3. Y0. Z1.
Z-0.02
G1 X3. F100.
G0 Z1.
G0 X-3. Y0.4
Z-0.0205
G1 X3. ; expect step-below-smallest error: step 0.5 µm, the axes need 0.6 µm (2 × smallest step 0.3 µm) && a step of 0.6 µm or more, or none
G0 Z1.
M5
M30
%
