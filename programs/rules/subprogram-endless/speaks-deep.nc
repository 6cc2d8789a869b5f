%
O1 (calls three deep, where two are allowed)
G21 G90 G17 G94
G54
G0 X0. Y0. Z1.
M98 P100
M30
O100
M98 P200
M99
O200
M98 P300 ; expect subprogram-endless error: calls nest too deep: O1 calls O100 calls O200 calls O300; allowed depth 2
M99
O300
G0 X1.
M99
%
