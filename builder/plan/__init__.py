"""What it was to cost, what it will cost, and will it be ready: variances, earned value, pace and finish."""
