%
O1 (G10 writes something else than the sheet has)
G21 G90 G17 G94
G10 L2 P1 X-20.0001 Y5. Z-60. ; expect offset-shift-left warning: the shift of G10 L2 P1 && the old offset data written back before the end && the program ends at line 8
G54
G0 X0. Y0. Z1.
G1 X2. F100.
M30
%
