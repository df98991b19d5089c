import { createRoot } from 'react-dom/client';
import { CookPage } from '../../../src/web/cook/cook-page.tsx';
import '../../../src/web/style/ground.css';
import '../../../src/web/style/controls.css';

createRoot(document.getElementById('cook')!).render(<main><CookPage /></main>);
