%
O1 (just less than 195 degrees in radius form)
G21 G90 G17 G94
G54
G0 X0. Y0. Z1.
G2 X1.9829 R-1. F100. ; expect arc-ill-conditioned warning: an arc of 19 && radius form is safe up to 165° (NISTIR 6556 section 3.5.3.1)
M30
%
