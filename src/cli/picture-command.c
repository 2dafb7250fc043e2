/* picture-command.c: petalpane-cli picture.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "art/picture.h"

#include "cli/command.h"
#include "cli/panel-answers.h"
#include "file/save.h"
#include "panel/i18n.h"

#define DEFAULT_WIDTH 1600 /* pixels */

/* "30,-15": degrees sideways and up, each under 90 either way. */
static gboolean
parse_view (const char *text,
            PpViewFrom *view)
{
  char *end;

  view->sideways = g_ascii_strtod (text, &end);
  if (end == text || *end != ',')
    return FALSE;
  text = end + 1;
  view->updown = g_ascii_strtod (text, &end);
  return end != text && *end == '\0' && fabs (view->sideways) < 90 && fabs (view->updown) < 90;
}

static int
write_picture (const char       *file,
               const char       *out,
               const PpViewFrom *view,
               int               width)
{
  g_auto (PpPanelAnswers) answers = { NULL };
  g_autoptr (GError) error = NULL;
  g_autoptr (GBytes) png = NULL;

  if (!pp_panel_answers_init_shown (&answers, file, NULL, &error))
    return pp_command_fail (file, error->message);
  png = pp_picture_png (answers.check->scene, answers.gallery, answers.bases, answers.tops, view,
                        width, &error);
  if (png == NULL
      || !pp_file_save (out, g_bytes_get_data (png, NULL), g_bytes_get_size (png), &error))
    return pp_command_fail (NULL, error->message);
  return PP_EXIT_DONE;
}

int
pp_command_picture (int    argc,
                    char **argv)
{
  g_autofree char *out = NULL;
  g_autofree char *from = NULL;
  int width = DEFAULT_WIDTH;
  PpViewFrom view = { 0 };
  const GOptionEntry entries[] = {
    { "output", 'o', 0, G_OPTION_ARG_FILENAME, &out, N_("The PNG file to write"), N_("OUT.png") },
    { "width", 0, 0, G_OPTION_ARG_INT, &width, N_("Width in pixels, 1600 unless said"), N_("PX") },
    { "view", 0, 0, G_OPTION_ARG_STRING, &from,
      N_("Where the viewer stands, in degrees to the right and up"), N_("SIDEWAYS,UPDOWN") },
    { "behind", 0, 0, G_OPTION_ARG_NONE, &view.from_behind, N_("Seen from behind"), NULL },
    G_OPTION_ENTRY_NULL,
  };
  g_autofree char *file = NULL;

  if (!pp_command_parse (argc, argv, entries, _("Writes the arrangement as a picture."), &file))
    return PP_EXIT_UNUSABLE;
  if (out == NULL)
    return pp_command_fail (NULL, _("-o must name the picture to write."));
  if (!g_str_has_suffix (out, ".png") || pp_command_is_same_file (out, file))
    return pp_command_fail (out, _("the picture needs a name of its own that ends in .png."));
  if (width < PP_PICTURE_MIN_WIDTH || width > PP_PICTURE_MAX_WIDTH)
    return pp_command_fail (NULL, _("--width must be from 16 to 16384 pixels."));
  if (from != NULL && !parse_view (from, &view))
    return pp_command_fail (NULL, _("--view must be two angles under 90, such as 30,-15."));
  if (from != NULL && view.from_behind)
    return pp_command_fail (NULL, _("--behind is straight from behind and takes no --view."));
  return write_picture (file, out, &view, width);
}
