%
O1 (increments, and a program that mixes both styles)
G21 G90 G17 G94
G54
G0 X0. Y0. Z1.
G1 X10 F100. ; expect missing-decimal-point error @4: X10 has no decimal point and is read as 0.001 mm && X10.
M30
%
