/* wide.h: loops for the widest vectors that the processor has.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A function marked so is compiled twice, and which one is called is settled when the program is
 * loaded. Only the width differs: nothing is contracted or reordered, so the answers are the same.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

#if defined(__x86_64__) && defined(__GLIBC__) && !defined(__clang__) \
    && !defined(__SANITIZE_ADDRESS__) && !defined(__SANITIZE_THREAD__)
#define PP_WIDE __attribute__ ((target_clones ("avx2", "default")))
#else
#define PP_WIDE
#endif

/* Of `n` numbers. In several sums side by side: a single one would wait for itself at each step. */
double pp_wide_sum (const double *x,
                    guint         n);

G_END_DECLS
