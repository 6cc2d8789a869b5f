%
O1 (a blank inside a number)
G21 G90 G17 G94
G54
G0 X0. Y0. Z1.
G1 X1.0 5 F100. ; expect space-inside-number warning: 1.05 && blanks inside a number are passed over (NISTIR 6556 section 3.3)
M30
%
