%
O1 (pecks that come back short of the last depth)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X-1. Y0. Z0.2
G99 G83 Z-0.3 R0.1 Q0.1 F30.
X1.
G80
G0 Z1.
M5
M30
%
