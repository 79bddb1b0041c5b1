"""Problems for a class, their codes, the mistakes that learners make, and marking.

A calculator is known here only by the frozen values that it hands over (``task``)."""
