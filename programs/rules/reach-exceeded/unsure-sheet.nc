%
O1 (a tool whose shank is not known)
G21 G90 G17 G94
G54
T5 M6
G43 H5
S30000 M3
G0 X-3. Y0. Z1.
Z-0.3
G1 X3. F100.
Z-0.6
X-3. ; not checked reach-exceeded: tools.5.shank.diameter is not on the sheet
G0 Z1.
M5
M30
%
