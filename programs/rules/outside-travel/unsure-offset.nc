%
O1 (G55 is not on the sheet: where the machine is then is not known)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X-3. Y0. Z1.
G55
X160. ; not checked outside-travel: offsets.G55.X is not on the sheet
X0.
G54
M5
M30
%
