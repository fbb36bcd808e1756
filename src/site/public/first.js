// Runs before the page is painted, so that nothing flickers: the reader's unit and brightness.
(() => {
  const page = document.documentElement;
  page.classList.add('js');
  try {
    const unit = localStorage.getItem('fettlebook.unit');
    const theme = localStorage.getItem('fettlebook.theme');
    if (unit === 'mm' || unit === 'in') page.dataset.unit = unit;
    if (theme === 'light' || theme === 'dark') page.dataset.theme = theme;
  } catch {
    // A browser that keeps nothing still reads the page.
  }
})();
