%
O1 (blanks between words and behind letters only)
G21 G90 G17 G94
G54
G0 X0. Y0. Z1.
G1 X 1.05 F 100.
M30
%
