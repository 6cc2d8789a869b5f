%
O1 (neither G61 nor G64)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X0. Y0. Z0.01
G1 Z-0.0039 F60.
X1. F100. ; not checked blend-exceeds-step: the path mode was never stated, and blending would be too coarse
G0 Z1.
M5
M30
%
