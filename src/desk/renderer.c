/* renderer.c: cairo draws where the graphics card is a program.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * GL on a software driver takes some 80 ms a frame for what cairo does in one, because cairo
 * paints only what changed.
 */
#include "config.h"

#include "desk/renderer.h"

#include <epoxy/gl.h>
#include <string.h>

static gboolean
is_software (const char *renderer)
{
  static const char * const programs[] = { "llvmpipe", "softpipe", "swrast", "SwiftShader" };

  for (guint i = 0; i < G_N_ELEMENTS (programs); i++)
    if (renderer != NULL && strstr (renderer, programs[i]) != NULL)
      return TRUE;
  return FALSE;
}

static gboolean
has_fast_gl (GdkDisplay *display)
{
  g_autoptr (GdkGLContext) gl = gdk_display_create_gl_context (display, NULL);
  gboolean is_fast;

  if (gl == NULL || !gdk_gl_context_realize (gl, NULL))
    return FALSE;
  gdk_gl_context_make_current (gl);
  is_fast = !is_software ((const char *) glGetString (GL_RENDERER));
  gdk_gl_context_clear_current ();
  return is_fast;
}

void
pp_renderer_choose (GdkDisplay *display)
{
  g_return_if_fail (GDK_IS_DISPLAY (display));

  if (g_getenv ("GSK_RENDERER") == NULL && !has_fast_gl (display))
    g_setenv ("GSK_RENDERER", "cairo", FALSE);
}
