/* art-refs.c: what a value or a style sheet refers to.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * CSS is not parsed. Its escapes are undone (CSS Syntax Level 3, 4.3.7) and then every "url("
 * counts, in a comment or string too. That can only find more than a parser would: undoing an
 * escape never breaks up letters that stand unescaped, as none of "url(" is a hexadecimal digit
 * or space that an escape could swallow.
 */
#define _GNU_SOURCE /* strchrnul */
#include "config.h"

#include "art/art-refs.h"

#include "art/art-fail.h"
#include "art/art-picture.h"
#include "panel/i18n.h"

#include <string.h>

#define MAX_ESCAPE_DIGITS 6

void
pp_art_refs_init (PpArtRefs *self)
{
  self->ids = g_ptr_array_new_with_free_func (g_free);
  self->pixels = 0;
}

void
pp_art_refs_clear (PpArtRefs *self)
{
  g_clear_pointer (&self->ids, g_ptr_array_unref);
}

gboolean
pp_art_refs_add_address (PpArtRefs   *self,
                         const char  *address,
                         GError     **error)
{
  double pixels;

  while (g_ascii_isspace (*address))
    address++;
  if (*address == '#')
    {
      g_ptr_array_add (self->ids, g_strchomp (g_strdup (address + 1)));
      return TRUE;
    }
  if (!g_str_has_prefix (address, "data:"))
    return pp_art_fail_outside (error);
  if (!pp_art_picture_measure (address, &pixels))
    return pp_art_fail (error, PP_ART_ERROR_OUTSIDE,
                        _("The drawing embeds something that is not a PNG or JPEG picture."));
  self->pixels += pixels;
  return TRUE;
}

/* Reads the escape whose backslash stands at `at`; returns where it ends. */
static const char *
undo_escape (const char *at,
             GString    *plain)
{
  gunichar c = 0;
  guint digits = 0;

  for (at++; digits < MAX_ESCAPE_DIGITS && g_ascii_isxdigit (*at); at++, digits++)
    c = c * 16 + (gunichar) g_ascii_xdigit_value (*at);
  if (digits == 0)
    return at;
  g_string_append_unichar (plain, c != 0 && g_unichar_validate (c) ? c : 0xfffd);
  if (at[0] == '\r' && at[1] == '\n')
    at++;
  return g_ascii_isspace (*at) ? at + 1 : at;
}

char *
pp_art_css_undo_escapes (const char *css)
{
  GString *plain = g_string_sized_new (strlen (css));

  while (*css != '\0')
    {
      const char *stop = strchrnul (css, '\\');

      g_string_append_len (plain, css, stop - css);
      css = *stop == '\\' ? undo_escape (stop, plain) : stop;
    }
  return g_string_free (plain, FALSE);
}

/* The address between "url(" and its end, quotes taken off. */
static char *
dup_address (const char *start)
{
  const char *end;

  while (g_ascii_isspace (*start))
    start++;
  if (*start == '"' || *start == '\'')
    {
      end = strchrnul (start + 1, *start);
      start++;
    }
  else
    end = start + strcspn (start, ") \t\r\n\f");
  return g_strndup (start, (gsize) (end - start));
}

gboolean
pp_art_refs_add_css (PpArtRefs   *self,
                     const char  *css,
                     GError     **error)
{
  static const char *const outside[] = { "@import", "image(", "image-set(", "src(" };
  g_autofree char *plain = pp_art_css_undo_escapes (css);
  g_autofree char *lower = g_ascii_strdown (plain, -1);

  if (strstr (lower, "javascript:") != NULL)
    return pp_art_fail (error, PP_ART_ERROR_SCRIPT, _("The drawing holds a script."));
  for (guint i = 0; i < G_N_ELEMENTS (outside); i++)
    if (strstr (lower, outside[i]) != NULL)
      return pp_art_fail_outside (error);
  for (const char *at = lower; (at = strstr (at, "url(")) != NULL; at++)
    {
      g_autofree char *address = dup_address (plain + (at - lower) + strlen ("url("));

      if (!pp_art_refs_add_address (self, address, error))
        return FALSE;
    }
  return TRUE;
}
