%
O1 (down to one level, then up to the next)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X-3. Y0. Z1.
Z-0.008
G1 X0. F100.
Z-0.0061
X3. ; expect approach-mixed warning: levels of stairs are approached from above and from below: reversal 0.5 µm, a quarter of the step is 0.475 µm && from above at line 10 && from below at line 12; machine.reversal; step 1.9 µm
G0 Z1.
M5
M30
%
