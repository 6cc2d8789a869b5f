%
O1 (pecks farther down than the neck is long)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X0. Y0. Z0.1
G99 G83 Z-0.7 R0.1 Q0.35 F30. ; expect reach-exceeded error x2: stock beside tool 3 stands 0.6 mm above its tip, its reach is 0.5 mm
G80
G0 Z1.
M5
M30
%
