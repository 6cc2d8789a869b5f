%
O1 (a bull-nosed tool without its corner)
G21 G90 G17 G94
G54
T6 M6
G43 H6
S30000 M3
G0 X-1.5 Y0. Z1.
Z-0.01
G1 X1.5 F100. ; not checked cusp-above-limit: tools.6.corner_radius is not on the sheet
Y0.52
X-1.5
G0 Z1.
M5
M30
%
