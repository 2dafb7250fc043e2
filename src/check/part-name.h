/* part-name.h: what a fused part is called in a sentence.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "shape/scene.h"

G_BEGIN_DECLS

/* Its name; its id where that is empty. (transfer none) */
static inline const char *
pp_part_name_of (const PpPart *part)
{
  return *part->fused->name != '\0' ? part->fused->name : part->fused->id;
}

G_END_DECLS
