## Pages.

app-name = Broodwright
skip-to-content = Skip to the content
page-today = Today
page-sums = Work it out
page-home-intro = What do you want to know?
nav-label = Pages
