%
O1 (every legal form of a number, with and without blanks)
G21 G90 G17 G94
G54
G0 X0. Y0. Z1.
g1 x+1.5 y-.5 f100.
X 2. Y 5.0 (closed)
M30
%
