%
O1 (N20 stands twice)
N10 G21 G90 G17 G94
N20 G54
N20 G0 X0. Y0. Z1. ; expect sequence-number-repeated note: N20 stands here and at line 4
N30 M30
%
