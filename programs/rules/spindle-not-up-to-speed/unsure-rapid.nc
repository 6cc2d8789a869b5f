%
O1 (how long the rapid move takes is not known)
G21 G90 G17 G94
G54
T3 M6
G43 H3
G0 X-3. Y0. Z1.
Z-0.02
S20000 M3
X-100.
X-3.
G1 X3. F60. ; not checked spindle-not-up-to-speed: the rate of rapid moves is not known
G0 Z1.
M5
M30
%
