import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { App } from './app/app.tsx';
import './style/ground.css';
import './style/controls.css';
import './style/dish.css';
import './style/print.css';

const place = document.getElementById('desk');
if (place) createRoot(place).render(<StrictMode><App /></StrictMode>);
